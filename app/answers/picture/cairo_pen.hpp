// A Scene replayed into a cairo context, as it stands: points of the scene are units of the context.
#pragma once

#include "answers/picture/letters.hpp"
#include "charts/scene.hpp"

struct _cairo;

namespace pourbook {

void draw(const Scene& scene, const Letters& letters, _cairo* context);

} // namespace pourbook
